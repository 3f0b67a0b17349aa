"""Calculations: the shared calculation module, one topic a file; `BOOK` holds all of them.

A quantity is a plain function; the book finds what it needs by its parameter names. A misconception stands beside what
it distorts. Lengths of a tank are in metres, sizes of steel, mesh and mortar in millimetres, as a mason says them.

| file | topic |
|---|---|
| `conversions` | metres, millimetres, inches, feet, litres |
| `setting_out` | inside, frame, outside and base circle; the ring |
| `frame` | angles, and the bars between them |
| `hoops` | how many hoops, how long, their laps, their mass, bars to buy |
| `wall` | what a wall is built up of, its thickness, cover over the steel |
| `volumes` | floor, water, mortar of the wall, concrete of the base, trough |
| `mortar` | cement, sand and water for the mortar |
"""

from generator.calculations import conversions, frame, hoops, mortar, setting_out, volumes, wall
from generator.calculations._book import BOOK

__all__ = ["BOOK", "conversions", "frame", "hoops", "mortar", "setting_out", "volumes", "wall"]
