package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import javax.xml.stream.XMLStreamException;
import withers.ingest.pack.Archive;
import withers.ingest.pack.PackedFile;
import withers.source.InputRefusedException;

/** Finds a sheet by its first row; the rest of a spreadsheet is not read. */
public final class SheetFinder {

  private final Archive archive;
  private final WorkbookParts parts;

  private SheetFinder(Archive archive, WorkbookParts parts) {
    this.archive = archive;
    this.parts = parts;
  }

  /**
   * The name of the first shown sheet that begins with these cells. Empty when there is none, and
   * also when the file is no spreadsheet that can be read: that is for its reader to say.
   */
  public static Optional<String> beginningWith(Path file, List<String> cells) {
    return with(PackedFile.plain(file), cells.size(), cells::equals);
  }

  /**
   * The name of the first shown sheet whose first row is wanted; empty as above.
   *
   * @param width how many cells from the left are looked at
   */
  public static Optional<String> with(
      PackedFile place, int width, Predicate<List<String>> isWanted) {
    try (Archive archive = Archive.open(place.channel(), place.name())) {
      return archive.isWorkbook()
          ? new SheetFinder(archive, WorkbookParts.read(archive)).find(width, isWanted)
          : Optional.empty();
    } catch (IOException
        | XMLStreamException
        | InputRefusedException
        | IllegalArgumentException no) {
      return Optional.empty();
    }
  }

  private Optional<String> find(int width, Predicate<List<String>> isWanted)
      throws IOException, XMLStreamException {
    for (WorkbookParts.SheetPart sheet : parts.sheets()) {
      Optional<InputStream> part = archive.part(sheet.path());
      if (sheet.isShown() && part.isPresent() && isWanted.test(firstRow(part.get(), width))) {
        return Optional.of(sheet.name());
      }
    }
    return Optional.empty();
  }

  private List<String> firstRow(InputStream sheet, int width)
      throws IOException, XMLStreamException {
    FirstRow row = FirstRow.read(sheet, width);
    return row.cells(sharedTexts(row.shared()));
  }

  private Map<Integer, String> sharedTexts(Collection<Integer> wanted)
      throws IOException, XMLStreamException {
    Optional<InputStream> stream =
        parts.sharedTexts().isPresent() && !wanted.isEmpty()
            ? archive.part(parts.sharedTexts().get())
            : Optional.empty();
    return stream.isPresent() ? texts(stream.get(), new HashSet<>(wanted)) : Map.of();
  }

  private static Map<Integer, String> texts(InputStream shared, Set<Integer> wanted)
      throws IOException, XMLStreamException {
    Map<Integer, String> texts = new HashMap<>();
    int last = Collections.max(wanted);
    int at = -1;
    try (PartReader part = new PartReader(shared, Bounds.SHARED_TEXTS)) {
      while (at <= last && part.next()) {
        at += part.starts("si") ? 1 : 0;
        if (part.ends("t") && wanted.contains(at)) {
          texts.merge(at, part.text().toString(), String::concat);
        }
      }
    }
    return texts;
  }
}
