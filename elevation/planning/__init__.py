"""What works over findings: remedies, the measuring order, first proposals."""
