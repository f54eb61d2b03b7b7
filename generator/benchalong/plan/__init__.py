"""What the author's words mean: exact sizes, parts, cuts, placed assemblies, steps.

Plain immutable data, resolved in passes. Imports neither numpy nor manifold3d, and nothing that
draws, writes or reads files.
"""
