"""Commands: each parses, calls, prints and exits. The only room that reads the clock."""
