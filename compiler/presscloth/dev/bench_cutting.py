"""Measure the cutting engine on sets of parts, next to an independent packing library.

`python -m presscloth.dev.bench_cutting FOLDER` reads every `*.json` in the folder: a list of sets with
`name`, `W` (width of the cloth), `opt` (known least length, or null), `inc` (the purchase step, if
any) and `items` (`w` across the cloth, `h` along it, `q` equal pieces, `rot`: a quarter turn is
allowed; or `shape`, an outline with x along the cloth and y across, and `rots`, its angles). To these
it adds perfect packings of its own. All of it is laid out with the means that a compile has. Seconds are
those of the processor; they belong to the machine and are printed side by side for their ratio;
everything else is the same everywhere. `work` is what was spent of the budget; `by seed` tells how many of
five runs, each with random numbers of its own, end no longer than ours, and the longest of them.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import rectpack

from presscloth.cutting import (
    DoesNotFit,
    Outline,
    Part,
    Roll,
    Way,
    check,
    check_outlines,
    lay_out,
    lay_out_outlines,
)
from presscloth.cutting.outlines import twice_area
from presscloth.dev.perfect import as_parts, pinwheels, straight

_SEEDS = 5  # of random numbers, for the sets that have a purchase step
_FINE = 100  # outlines are given in hundredths

_PEER_RULES = (rectpack.MaxRectsBl, rectpack.MaxRectsBssf, rectpack.SkylineBl, rectpack.SkylineMwf)
_PEER_ORDERS = (rectpack.SORT_AREA, rectpack.SORT_LSIDE, rectpack.SORT_SSIDE, rectpack.SORT_PERI)


@dataclass(frozen=True, slots=True)
class Instance:
    """One set of parts; `known` is its least length, `step` the purchase step."""

    group: str
    name: str
    width: int
    step: int
    known: int | None
    parts: tuple[Part, ...]


@dataclass(frozen=True, slots=True)
class Measured:
    """What one instance came to: the length to the last unit, and the purchase."""

    instance: Instance
    way: Way
    length: int
    bound: int
    seconds: float
    bought: int
    bought_proved: bool
    bought_seconds: float
    peer: int | None
    peer_seconds: float
    work: int
    by_seed: tuple[int, ...]

    @property
    def floor(self) -> int:
        """The known least length, or else the proved bound."""
        known = self.instance.known
        return self.bound if known is None or self.way is Way.STRIPS else known

    @property
    def gap(self) -> Fraction:
        """How far the length is above the floor, in percent."""
        return Fraction(100 * (self.length - self.floor), self.floor)

    @property
    def peer_gap(self) -> Fraction | None:
        return None if self.peer is None else Fraction(100 * (self.peer - self.floor), self.floor)


def run(folder: Path) -> Iterator[Measured]:
    """Every instance of the folder and of our own, free; those with a purchase step in strips too."""
    for instance in [*_read(folder), *_own()]:
        yield measured(instance, Way.FREE)
        if instance.known is None:
            yield measured(instance, Way.STRIPS)


def measured(instance: Instance, way: Way) -> Measured:
    """Lay out for the shortest length, for the least purchase, and with the peer."""
    started = time.process_time()
    cut = lay_out(Roll(instance.width), instance.parts, way=way)
    seconds = time.process_time() - started
    started = time.process_time()
    purchase = lay_out(Roll(instance.width), instance.parts, way=way, step=instance.step)
    bought_seconds = time.process_time() - started
    if isinstance(cut, DoesNotFit) or isinstance(purchase, DoesNotFit):
        raise ValueError(f"{instance.name}: a part is wider than the cloth")
    for tried in (cut, purchase):
        faults = check(instance.parts, [tried.layout], length=tried.need, strips=way is Way.STRIPS)
        if faults:
            raise ValueError(f"{instance.name}: {faults[0]}")
    started = time.process_time()
    peer = _peer_length(instance, cut.need) if way is Way.FREE else None
    return Measured(
        instance=instance,
        way=way,
        length=cut.need,
        bound=cut.bound,
        seconds=seconds,
        bought=purchase.bought,
        bought_proved=purchase.proved,
        bought_seconds=bought_seconds,
        peer=peer,
        peer_seconds=time.process_time() - started,
        work=cut.work,
        by_seed=_by_seed(instance, way, cut.need),
    )


def _by_seed(instance: Instance, way: Way, own: int) -> tuple[int, ...]:
    """The lengths with other random numbers, after our own, of what a compile might be asked, free."""
    if instance.known is not None or way is Way.STRIPS:
        return (own,)
    cuts = [lay_out(Roll(instance.width), instance.parts, seed=seed) for seed in range(1, _SEEDS)]
    return (own, *(cut.need for cut in cuts if not isinstance(cut, DoesNotFit)))


def _read(folder: Path) -> Iterator[Instance]:
    for path in sorted(folder.glob("*.json")):
        for entry in json.loads(path.read_text(encoding="utf-8")):
            if any("shape" in item for item in entry["items"]):
                continue
            parts = tuple(
                Part(
                    item.get("n", f"{item['w']} × {item['h']}"), item["w"], item["h"], item["q"], item["rot"]
                )
                for item in entry["items"]
            )
            name = entry["name"]
            group = name[:2] if entry["opt"] is not None else "sewing"
            yield Instance(group, name, entry["W"], entry.get("inc", 1), entry["opt"], parts)


def _own() -> Iterator[Instance]:
    """Perfect packings of ours: straight cuts and pinwheels, fixed and turnable."""
    for seed, pieces in enumerate((12, 20, 40, 80), 1):
        for kind, cut in (("straight", straight), ("pinwheels", pinwheels)):
            for turnable in (False, True):
                parts = as_parts(cut(120, 160, pieces, seed), turnable=turnable)
                turned = ", turnable" if turnable else ""
                yield Instance("own", f"{kind} {pieces}{turned}", 120, 1, 160, tuple(parts))


def _peer_length(instance: Instance, ours: int) -> int | None:
    """The shortest length of the peer's rules and orders; None if none of them lays out all parts.

    The peer turns all parts or none. It is given cloth of growing shortness until it fails.
    """
    sizes = [(part.width, part.height) for part in instance.parts for _ in range(part.quantity)]
    turnable = all(part.turnable or part.width == part.height for part in instance.parts)
    best: int | None = None
    for rule in _PEER_RULES:
        for order in _PEER_ORDERS:
            length = 3 * ours if best is None else best - 1
            while length > 0:
                packer = rectpack.newPacker(
                    mode=rectpack.PackingMode.Offline, pack_algo=rule, sort_algo=order, rotation=turnable
                )
                for width, height in sizes:
                    packer.add_rect(width, height)
                packer.add_bin(instance.width, length)
                packer.pack()
                laid = packer.rect_list()
                if len(laid) < len(sizes):
                    break
                best = max(y + height for _, _, y, _, height, _ in laid)
                length = best - 1
    return best


_HEAD = (
    "set",
    "way",
    "pieces",
    "length",
    "floor",
    "gap %",
    "proved",
    "s",
    "work",
    "by seed",
    "bought",
    "least",
    "s",
    "peer",
    "peer %",
    "s",
)


def table(rows: Sequence[Measured]) -> str:
    """A line per instance, then per group the mean and the worst gap and the share proved."""
    lines = [_HEAD, *(_line(row) for row in rows)]
    widths = [max(len(line[at]) for line in lines) for at in range(len(_HEAD))]
    text = [
        "  ".join(
            cell.rjust(width) if at else cell.ljust(width)
            for at, (cell, width) in enumerate(zip(line, widths, strict=True))
        )
        for line in lines
    ]
    groups = dict.fromkeys((row.instance.group, row.way) for row in rows)
    text.append("")
    for group, way in groups:
        text.append(
            _summary(
                f"{group} {way.value}", [row for row in rows if (row.instance.group, row.way) == (group, way)]
            )
        )
    published = [row for row in rows if row.instance.group.startswith("C")]
    if published:
        text.append(_summary("C1–C7", published))
    text.append(_summary("all", rows))
    return "\n".join(text)


def _line(row: Measured) -> tuple[str, ...]:
    return (
        row.instance.name,
        row.way.value,
        str(sum(part.quantity for part in row.instance.parts)),
        str(row.length),
        str(row.floor),
        f"{float(row.gap):.2f}",
        "yes" if row.length == row.bound else "no",
        f"{row.seconds:.2f}",
        str(row.work),
        _seeds(row.by_seed),
        str(row.bought),
        "proved" if row.bought_proved else "?",
        f"{row.bought_seconds:.2f}",
        "" if row.peer is None else str(row.peer),
        "" if row.peer_gap is None else f"{float(row.peer_gap):.2f}",
        "" if row.peer is None else f"{row.peer_seconds:.2f}",
    )


def _seeds(lengths: Sequence[int]) -> str:
    """`5 of 5`; with the longest where some seeds end at more than our own: `3 of 5, 1790`."""
    if len(lengths) == 1:
        return ""
    reached = sum(length <= lengths[0] for length in lengths)
    worst = "" if reached == len(lengths) else f", {max(lengths)}"
    return f"{reached} of {len(lengths)}{worst}"


def _summary(name: str, rows: Sequence[Measured]) -> str:
    gaps = [row.gap for row in rows]
    peers = [row.peer_gap for row in rows if row.peer_gap is not None]
    peer = f", peer mean {float(sum(peers) / len(peers)):.2f} %" if peers else ""
    return (
        f"{name}: mean gap {float(sum(gaps) / len(gaps)):.2f} %, worst {float(max(gaps)):.2f} %, "
        f"length proved {sum(row.length == row.bound for row in rows)} of {len(rows)}, "
        f"purchase proved {sum(row.bought_proved for row in rows)} of {len(rows)} "
        f"({100 * sum(row.bought_proved for row in rows) // len(rows)} %), "
        f"{sum(row.seconds for row in rows) / len(rows):.2f} s each{peer}"
    )


def outlines(folder: Path) -> Iterator[str]:
    """A line per set of outlines: length, purchase, bound, seconds."""
    for path in sorted(folder.glob("*.json")):
        for entry in json.loads(path.read_text(encoding="utf-8")):
            if not any("shape" in item for item in entry["items"]):
                continue
            parts = [
                Outline(
                    item["n"],
                    tuple((round(y * _FINE), round(x * _FINE)) for x, y in item["shape"]),
                    item["q"],
                    tuple(item["rots"]),
                )
                for item in entry["items"]
            ]
            started = time.process_time()
            cut = lay_out_outlines(Roll(entry["W"] * _FINE), parts, step=entry["inc"] * _FINE)
            seconds = time.process_time() - started
            if isinstance(cut, DoesNotFit) or check_outlines(parts, cut.layout, length=cut.need):
                raise ValueError(f"{entry['name']}: no sound layout")
            area = sum(twice_area(part.points) * part.quantity for part in parts) // (2 * entry["W"] * _FINE)
            yield (
                f"{entry['name']}: length {cut.need / _FINE:.2f}, area {area / _FINE:.2f}, "
                f"bought {cut.bought // _FINE}, bound {cut.bound // _FINE}, {seconds:.2f} s"
            )


def main(arguments: Sequence[str]) -> int:
    if len(arguments) != 1 or not Path(arguments[0]).is_dir():
        print("usage: python -m presscloth.dev.bench_cutting FOLDER", file=sys.stderr)
        return 2
    folder = Path(arguments[0])
    print(table(list(run(folder))))
    print()
    for line in outlines(folder):
        print(line)
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
