"""What has to be bought, how much of it, and what does it cost?"""
