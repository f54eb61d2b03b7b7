"""Files -> what the author wrote. Text in, plain frozen data and a table of marks out; no meaning yet."""
