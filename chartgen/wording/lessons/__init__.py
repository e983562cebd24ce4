"""Exercises, keys, quizzes and marks as words."""
