"""The author's steps against the work there is: which step does what, and can they be carried out as written?

`done_in.py` leads each line of `does:` to tasks; `step_check.py` goes over needs, gaps and settings.
"""
