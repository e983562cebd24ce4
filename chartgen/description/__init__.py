"""Shop files in TOML -> the model. Every fault of a file is found at once, each with its line."""
