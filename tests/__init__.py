"""The tests, laid out like the package; as a package so that no other "tests" shadows them."""
