"""What really goes wrong with files: kills, full disks, lost folders and permissions, others at the same file."""
