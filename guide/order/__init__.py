"""The order of work: which steps a job has, what each waits for, and one sound order of all of them."""
