"""What is sewn: pieces on the bolt, marks on each panel, alterations of ready-made ones. Pure data."""
