"""The jobs: every piece of work that follows from the plan, and what must be done before it.

Nothing here puts jobs in an order of time, and nothing reads the author's steps as an order: an order of
work and the check of the steps are made from these. A job is called a `Task` in the code, since
`plan.model.Job` is one line of a step's `does:`.
"""
