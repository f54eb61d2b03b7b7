"""The parts of one joint, looked at: what meets nothing, and what stays open."""
