package withers.ingest.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import withers.cli.Console;
import withers.ingest.Inspected;
import withers.ingest.inspect.Draft;

/** Writes drafts of profiles; a file that is there is never touched. */
record DraftFiles(Path folder, Console console) {

  /**
   * Writes them all; false when one could not be written because a profile of its name is there.
   */
  boolean write(List<Inspected> found) {
    boolean all = true;
    Set<Path> written = new HashSet<>();
    for (Inspected one : found) {
      Path file = folder.resolve(one.draft().sourceId() + ".yaml");
      all &= written.contains(file) || write(file, one.draft());
      written.add(file);
    }
    return all;
  }

  private boolean write(Path file, Draft draft) {
    if (Files.exists(file)) {
      console.say(
          "withers: Expected no profile of this name yet, but found %s: it was left as it is; move it, or choose another folder."
              .formatted(file));
      return false;
    }
    try {
      Files.createDirectories(folder);
      Files.write(
          file, draft.text().getBytes(StandardCharsets.UTF_8), StandardOpenOption.CREATE_NEW);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    console.say("Drafted: " + file);
    return true;
  }
}
