"""The gluten page for the person who asks, and the list of the room."""
