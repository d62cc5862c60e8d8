"""Tests of the bake model."""
