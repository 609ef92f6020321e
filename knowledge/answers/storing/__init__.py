"""How long food keeps and where; thawing and freezing again."""
