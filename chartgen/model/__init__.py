"""What is described: lathe, motor, blades, materials, and what to print. No reading, no files.

Everything here is frozen and checks itself; a value the owner did not state is None, and
the limits put a named allowance in its place, where it can be seen and overridden.
"""
