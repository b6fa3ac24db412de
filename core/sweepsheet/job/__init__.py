"""A job as frozen values, read from the data of a job file and checked."""
