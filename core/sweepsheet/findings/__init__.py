"""What there is to know about a job, and what to do."""
