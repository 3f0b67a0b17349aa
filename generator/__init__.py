"""Tankschool's machine: reads the course, calculates, draws, prints, builds the offline site, marks and decides.

Rooms, top to bottom; a room imports only from the rooms below it: commands; site and sheets; assessment; exercises;
curriculum; figures; calculations; formula; words and problems.
"""

VERSION = "0.1.0"
