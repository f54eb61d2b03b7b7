"""benchalong: a woodworking plan and its step notes become a static site for building along."""

__version__ = "0.1.0"
