"""What the sweeps of a round mean: bore, face, pilot line, fit, parts that turn."""
