package withers.ingest;

import withers.ingest.file.ExportFile;
import withers.ingest.rows.Header;
import withers.ingest.translate.Translation;

/** A row of an export that was read and is held. */
record HeldRow(ExportFile file, Header header, UnreadRow row, Translation translation) {}
