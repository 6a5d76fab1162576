"""Everything that a handout says, worded: the tree that writers print, and how it is built."""
