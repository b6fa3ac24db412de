"""What was typed, as the data of a job file, and back."""
