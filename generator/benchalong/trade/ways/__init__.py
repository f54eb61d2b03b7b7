"""How a cut is made with the tools at hand: ways with their settings, or a refusal that says why.

Knows wood, tools and numbers; knows nothing of any plan. Everything here is common practice, with no source
but shops, and defers to the tool maker's manual, local codes and licensed practice.

`table.ways(work, tools, country)` answers; `model` has the nouns; `tools.at_hand` reads an author's
own words. Each tool has a module with its `WAYS` and `REFUSALS`; what several do alike stands in `at_table`
and `routed` (whole cuts), `fenced` and `settings` (numbers to set), `refused` and `texts` (words). `asked`
puts every way together, with its cautions and minutes.
"""
