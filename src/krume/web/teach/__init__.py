"""Teaching: a formula or a class as a learner would read it, its conflicts first."""
