"""Rough sizes."""
