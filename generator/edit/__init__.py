"""Commands that write records: blank ones, ordered ones, lifted ones, and schemas for editors."""
