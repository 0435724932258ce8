"""wallbrief: talks a person through insulating and framing basement walls and writes the papers to build from.

The package imports nothing here, so that every command pays only for what it uses.
"""
