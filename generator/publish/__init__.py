"""Building a site beside the old one and putting it in its place, whole."""
