"""Small recipes with something to choose, each for another way in which numbers may follow."""

HEAD = """\
---
title: {title}
release: 2027-05
written in: {system}
---

# {title}

"""

TIES = (
    HEAD.format(title="Ties", system="metric")
    + """\
It hangs {drop} low, {2 × drop + 1/3 × base} in all, {drop, about}.

## Sizes

| Size  | base            |
|-------|-----------------|
| Small | 9 cm (3 1/2 in) |
| Large | 13 cm (5 in)    |

## Measures

- seam = 1 cm (3/8 in)
- drop = 24 cm (9 1/2 in), yours to choose from 7.5 cm (3 in) to 40 cm (16 in): from the shoulder
- slant = sqrt(drop × drop + base × base)
- breadth = max(drop, 2 × base)
- narrow = min(drop / 3, base)
- short = drop / 40
- girth = pi × drop
- marks = round up(drop to 5 cm (2 in))
- low = round down(drop to 1 cm (1/2 in))

## Materials

| Key | Material | Form   | Width           | Sold by        | Notes |
|-----|----------|--------|-----------------|----------------|-------|
| A   | Linen    | fabric | 140 cm (55 in)  | 10 cm (1/8 yd) |       |
| B   | Tape     | tape   |                 | 10 cm (1/8 yd) |       |

## Pieces

| Piece | From | Cut | Width            | Height          | Notes |
|-------|------|-----|------------------|-----------------|-------|
| front | A    | 1   | base + 2 × seam  | drop + 2 × seam |       |
| back  | A    | 1   | base + 2 × seam  | drop + 2 × seam |       |
| edge  | A    | 2   | breadth + 2 × seam  | 6 cm (2 3/8 in) |       |
| tie   | B    | 1   |                  | slant           |       |

## Steps

1. Sew front and back together: {width of bag} by {height of bag}, {around of bag} around.

   ```sew
   bag = join front to back on left, right, bottom
   ```

2. Lay the edges together, {width of band} long, {slant} over the corner, {girth} around, {narrow} or
   {short} wide; mark every {marks}, at most {low}.

   ```sew
   band = join 2 edge top to bottom
   attach tie to band
   finish bag, band
   ```

## Checks

- drop <= 3 × base: it does not drag on the floor
- drop > base: a hand fits in
"""
)

POCKETS = (
    HEAD.format(title="Pockets", system="imperial")
    + """\
## Measures

- seam = 1/4 in (6 mm)
- pocket = 5 in (12.5 cm), yours to choose from 3 in (7.5 cm) to 8 in (20 cm)
- flap = 2 in (5 cm), yours to choose from 1 in (2.5 cm) to 4 in (10 cm)
- buckle = exactly 25 mm
- number = 3

## Materials

| Key | Material | Form   | Width          | Sold by        | Notes |
|-----|----------|--------|----------------|----------------|-------|
| A   | Canvas   | fabric | 54 in (137 cm) | 1/8 yd (10 cm) |       |

## Pieces

| Piece   | From | Cut     | Width                     | Height                | Notes |
|---------|------|---------|---------------------------|-----------------------|-------|
| pouch   | A    | number  | pocket + 2 × seam         | pocket + flap         |       |
| tab     | A    | 1       | 2 × buckle + 2 × seam     | flap + buckle         |       |

## Steps

1. Join the pouches to a row {width of row} wide. The tab is {width of tab} by {height of tab}.

   ```sew
   row = join 3 pouch side by side
   hem all of row by 1/4 in (6 mm) twice
   attach tab to row
   ```

2. The row is {width of row} by {height of row}, {number × pocket} in all.

   ```sew
   finish row
   ```
"""
)

FILLED = (
    HEAD.format(title="Filled", system="metric")
    + """\
## Measures

- seam = 1 cm (3/8 in)
- side = 30 cm (12 in), about, yours to choose from 20 cm (8 in) to 60 cm (24 in)
- filling = 250 g (9 oz), yours to choose from 100 g (3 1/2 oz) to 1200 g (43 oz)

## Materials

| Key | Material | Form    | Width          | Sold by        | Notes |
|-----|----------|---------|----------------|----------------|-------|
| A   | Ticking  | fabric  | 140 cm (55 in) | 10 cm (1/8 yd) |       |
| B   | Wool     | filling |                | 50 g (2 oz)    |       |

## Pieces

| Piece | From | Cut | Width | Height | Notes |
|-------|------|-----|-------|--------|-------|
| cover | A    | 1   | 24 cm (9 1/2 in) | 48 cm (19 in)  |       |
| patch | A    | 1   | side / 4 | side / 3 | |

## Steps

1. Sew the cover, fill it with {filling}, half of it ({filling / 2}) at first, and put on the patch,
   {width of patch} by {height of patch}.

   ```sew
   pad = fold cover in half, join sides
   hem top of pad by 1 cm (3/8 in) twice
   fill pad with filling of B
   attach patch to pad
   finish pad
   ```
"""
)

ALL = (TIES, POCKETS, FILLED)
