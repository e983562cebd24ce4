"""A job's plan as words: the step table, the steps one by one, the sketch, the checks."""
