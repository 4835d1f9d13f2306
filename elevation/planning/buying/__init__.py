"""What has to be bought for rooms: parts, cloth, fixings, tools; from the shelf first, in packs, at known prices."""
