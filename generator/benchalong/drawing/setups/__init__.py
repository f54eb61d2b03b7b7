"""Views of a workpiece against fence, table and cutter: one module for each way of holding it."""
