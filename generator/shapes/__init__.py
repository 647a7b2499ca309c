"""The record kinds as trees and as JSON Schemas, for whatever writes or asks for a record."""
