"""What works over findings and over the room: remedies, and the same again for other windows."""
