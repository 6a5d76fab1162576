"""Edition to Construction: what an edition's `sew` blocks make, carried out in both systems."""
