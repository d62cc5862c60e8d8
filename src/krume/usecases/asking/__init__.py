"""What a request is, which text it means, what that text says, and what an answer carries."""
