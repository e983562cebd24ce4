"""Pages and tables -> PDF bytes, terminal text, CSV, JSON. They return, they never write."""
