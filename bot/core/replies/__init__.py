"""Facts -> sentences: the only place with text a cook reads.

`layout` has figures and lists, `plans` what is said about plans and swaps, `cooks`
what is said while something is on the heat, `talk` all the rest. The functions take
facts by name and return plain text, so that another language is another folder.
"""
