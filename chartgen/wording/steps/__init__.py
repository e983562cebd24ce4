"""The steps of an explanation, one file a subject: speed, feed, force, blade, work, grip..."""
