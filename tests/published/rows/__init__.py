"""Outside values of every model a record may name, asked for through the text of a record.

The physics rooms are held to their sources one by one elsewhere; here the grammar, the units, the
parameters and the engine stand in between, and a slip in any of them shows. A row of a circuit
simulator names the circuit, so that anybody can run it again.
"""
