package withers.ingest.inbox;

import java.nio.file.Path;
import java.util.Optional;
import withers.ingest.profile.SourceProfile;
import withers.ingest.receipt.FileState;

/**
 * A file in the inbox.
 *
 * @param shown its path in the inbox, with slashes
 * @param source whose folder it lies in; empty in the common inbox
 * @param state how it looked when the inbox was looked through
 */
public record InboxFile(Path path, String shown, Optional<SourceProfile> source, FileState state) {}
