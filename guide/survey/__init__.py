"""The survey: what the answers say of the basement, as frozen values, with every cross check on them."""
