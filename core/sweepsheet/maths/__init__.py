"""What any other may use: vectors, clock angles, units, the normal distribution, verdicts."""
