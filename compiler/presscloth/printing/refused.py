"""What printing refuses."""


class PrintingRefused(Exception):
    """A handout asks for something that is not its own, or for a picture that cannot be printed."""
