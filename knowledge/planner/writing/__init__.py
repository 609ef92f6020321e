"""The chosen draft in words: steps, amounts, cautions, reasons."""
