"""What each page shows: one frozen record a page, and the functions that make records from the plan.

A template gets its page's record and the site's, and nothing else. So a theme can't reach into the
plan, and whatever a page says is found here in one place. Everything is worked out by then: these
modules choose, name and order.
"""
