"""The book and the person's files: the only folder that touches them."""

from krume.store.book import (
    FOLDERS,
    Book,
    BookText,
    Loaded,
    add_texts,
    book_at,
    count_texts,
    digest,
    find_texts,
    is_book,
    list_tables,
    list_texts,
    make_folders,
)
from krume.store.files import FILE_LIMIT, is_file, is_folder, place_all, read_bytes, write_whole
from krume.store.kitchen import KitchenSettings, kitchen_of
from krume.store.prices import prices_of
from krume.store.studio import Scale, Studio, StudioCost, read_studio, studio_of
from krume.store.tables import table_rows, table_text

__all__ = [
    "FILE_LIMIT",
    "FOLDERS",
    "Book",
    "BookText",
    "KitchenSettings",
    "Loaded",
    "Scale",
    "Studio",
    "StudioCost",
    "add_texts",
    "book_at",
    "count_texts",
    "digest",
    "find_texts",
    "is_book",
    "is_file",
    "is_folder",
    "kitchen_of",
    "list_tables",
    "list_texts",
    "make_folders",
    "place_all",
    "prices_of",
    "read_bytes",
    "read_studio",
    "studio_of",
    "table_rows",
    "table_text",
    "write_whole",
]
