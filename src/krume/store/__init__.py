"""The book and the person's files: the only folder that touches them."""

from krume.store.backups import sha256_of
from krume.store.book import (
    FOLDERS,
    Book,
    BookText,
    add_texts,
    book_at,
    book_bytes,
    book_places,
    bytes_of_path,
    count_texts,
    database_of,
    digest,
    find_texts,
    folder_bytes,
    is_book,
    list_tables,
    list_texts,
    place_in,
    stamp_of,
)
from krume.store.care import back_up, faults, latest_backup, restore
from krume.store.contents import Loaded
from krume.store.edits import (
    drop_row,
    drop_text,
    keep_row,
    keep_text,
    kept_rows,
    kept_text,
    kept_versions,
)
from krume.store.files import FILE_LIMIT, is_file, is_folder, place_all, read_bytes, write_whole
from krume.store.kitchen import KitchenSettings, kitchen_of
from krume.store.prices import prices_of
from krume.store.sheets import KeptRow
from krume.store.studio import Scale, Studio, StudioCost, read_studio, studio_of
from krume.store.tables import table_rows, table_text
from krume.store.texts import KeptText

__all__ = [
    "FILE_LIMIT",
    "FOLDERS",
    "Book",
    "BookText",
    "KeptRow",
    "KeptText",
    "KitchenSettings",
    "Loaded",
    "Scale",
    "Studio",
    "StudioCost",
    "add_texts",
    "back_up",
    "book_at",
    "book_bytes",
    "book_places",
    "bytes_of_path",
    "count_texts",
    "database_of",
    "digest",
    "drop_row",
    "drop_text",
    "faults",
    "find_texts",
    "folder_bytes",
    "is_book",
    "is_file",
    "is_folder",
    "keep_row",
    "keep_text",
    "kept_rows",
    "kept_text",
    "kept_versions",
    "kitchen_of",
    "latest_backup",
    "list_tables",
    "list_texts",
    "place_all",
    "place_in",
    "prices_of",
    "read_bytes",
    "read_studio",
    "restore",
    "sha256_of",
    "stamp_of",
    "studio_of",
    "table_rows",
    "table_text",
    "write_whole",
]
