package withers.ingest;

import withers.ingest.file.ExportFile;
import withers.ingest.profile.Join;

/** A file that is joined to an export. */
public record JoinedFile(Join join, ExportFile file) {}
