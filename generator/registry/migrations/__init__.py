"""The steps that bring a registry's tables from one edition to the next."""
