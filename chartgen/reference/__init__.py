"""Published data as TOML, a source and a mark of trust on every number, one bibliography."""
