"""Which board each part comes from: blanks, boards and shop in, exact layouts out. `layout/` does the laying
out; it knows no plan."""
