"""Commands for those who work on Presscloth itself: `python -m presscloth.dev`. Not in the wheel."""
