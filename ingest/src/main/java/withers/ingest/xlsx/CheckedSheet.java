package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import withers.ingest.file.ExportFile;
import withers.ingest.pack.Archive;
import withers.source.InputRefusedException;

/**
 * A sheet that has been gone through once and can be read within bounds.
 *
 * @param serials how its days are counted
 */
record CheckedSheet(String name, DateSerials serials, MergedCells merged) {

  /**
   * Finds the sheet to read.
   *
   * @param wanted its name; empty for the only one that is shown and has rows
   * @throws InputRefusedException when there is none or several, or when the spreadsheet is damaged
   *     or out of bounds
   */
  static CheckedSheet find(ExportFile file, Optional<String> wanted) {
    try (Archive archive = Archive.open(file.place().channel(), file.name())) {
      WorkbookParts parts = WorkbookParts.read(archive);
      WorkbookParts.SheetPart sheet =
          wanted.isPresent()
              ? named(file.name(), parts, wanted.get())
              : only(file.name(), parts, archive);
      return check(archive, parts, sheet);
    } catch (InputRefusedException refused) {
      throw refused;
    } catch (IOException | XMLStreamException | RuntimeException broken) {
      throw XlsxRefusals.broken(file.name(), broken);
    }
  }

  private static CheckedSheet check(
      Archive archive, WorkbookParts parts, WorkbookParts.SheetPart sheet)
      throws IOException, XMLStreamException {
    int texts = 0;
    Optional<InputStream> shared =
        parts.sharedTexts().isPresent()
            ? archive.part(parts.sharedTexts().get())
            : Optional.empty();
    if (shared.isPresent()) {
      texts = SheetScan.countTexts(shared.get());
    }
    MergedCells merged = SheetScan.check(part(archive, sheet), texts);
    return new CheckedSheet(
        sheet.name(), parts.is1904() ? DateSerials.FROM_1904 : DateSerials.FROM_1900, merged);
  }

  private static InputStream part(Archive archive, WorkbookParts.SheetPart sheet)
      throws IOException {
    return archive
        .part(sheet.path())
        .orElseThrow(() -> new IOException("A sheet without its part"));
  }

  private static WorkbookParts.SheetPart named(String file, WorkbookParts parts, String wanted) {
    return parts.sheets().stream()
        .filter(sheet -> sheet.name().equals(wanted))
        .findFirst()
        .orElseThrow(() -> XlsxRefusals.noSuchSheet(file, wanted, names(parts.sheets())));
  }

  private static WorkbookParts.SheetPart only(String file, WorkbookParts parts, Archive archive)
      throws IOException, XMLStreamException {
    List<WorkbookParts.SheetPart> filled = new java.util.ArrayList<>();
    for (WorkbookParts.SheetPart sheet : parts.sheets()) {
      Optional<InputStream> part = archive.part(sheet.path());
      if (sheet.isShown() && part.isPresent() && SheetScan.hasRows(part.get())) {
        filled.add(sheet);
      }
    }
    if (filled.size() > 1) {
      throw XlsxRefusals.severalSheets(file, names(filled));
    }
    return filled.stream().findFirst().orElseThrow(() -> XlsxRefusals.noRows(file));
  }

  private static List<String> names(List<WorkbookParts.SheetPart> sheets) {
    return sheets.stream().map(WorkbookParts.SheetPart::name).toList();
  }
}
