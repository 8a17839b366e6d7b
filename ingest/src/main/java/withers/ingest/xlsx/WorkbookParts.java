package withers.ingest.xlsx;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;
import withers.ingest.pack.Archive;

/**
 * What a workbook says of itself (ISO/IEC 29500-1, 18.2; parts and relationships: 29500-2).
 *
 * @param is1904 whether days are counted from 1 January 1904
 * @param sharedTexts where the texts are that cells share
 */
record WorkbookParts(boolean is1904, List<SheetPart> sheets, Optional<String> sharedTexts) {

  private static final String TYPES = "[Content_Types].xml";
  private static final String WORKBOOK = "sheet.main+xml";
  private static final String MACRO_WORKBOOK = "sheet.macroEnabled.main+xml";
  private static final String SHARED_TEXTS = "sharedStrings+xml";
  private static final String STYLES = "styles+xml";

  /**
   * A sheet.
   *
   * @param path where it is in the archive
   * @param isShown false for hidden sheets
   */
  record SheetPart(String name, String path, boolean isShown) {}

  WorkbookParts {
    sheets = List.copyOf(sheets);
  }

  static WorkbookParts read(Archive archive) throws IOException, XMLStreamException {
    Map<String, String> byType = new HashMap<>();
    each(archive, TYPES, part -> override(part, byType));
    String workbook = byType.getOrDefault(WORKBOOK, "xl/workbook.xml");
    each(archive, byType.getOrDefault(STYLES, "xl/styles.xml"), part -> {});
    Map<String, String> targets = targets(archive, workbook);
    List<SheetPart> sheets = new ArrayList<>();
    boolean[] is1904 = {false};
    each(
        archive,
        workbook,
        part -> {
          if (part.starts("workbookPr")) {
            is1904[0] = part.attribute("date1904").filter(WorkbookParts::isTrue).isPresent();
          } else if (part.starts("sheet")) {
            sheets.add(sheet(part, targets));
          }
        });
    return new WorkbookParts(is1904[0], sheets, Optional.ofNullable(byType.get(SHARED_TEXTS)));
  }

  private static void override(PartReader part, Map<String, String> byType) {
    String type = part.starts("Override") ? part.attribute("ContentType").orElse("") : "";
    String path = part.attribute("PartName").orElse("").replaceFirst("^/", "");
    for (String wanted : List.of(WORKBOOK, SHARED_TEXTS, STYLES)) {
      if (type.endsWith(wanted)) {
        byType.put(wanted, path);
      }
    }
    if (type.endsWith(MACRO_WORKBOOK)) {
      byType.put(WORKBOOK, path);
    }
  }

  private static Map<String, String> targets(Archive archive, String workbook)
      throws IOException, XMLStreamException {
    int slash = workbook.lastIndexOf('/') + 1;
    String folder = workbook.substring(0, slash);
    Map<String, String> targets = new HashMap<>();
    each(
        archive,
        folder + "_rels/" + workbook.substring(slash) + ".rels",
        part -> {
          if (part.starts("Relationship")) {
            String target = part.attribute("Target").orElse("");
            targets.put(
                part.attribute("Id").orElse(""),
                target.startsWith("/") ? target.substring(1) : folder + target);
          }
        });
    return targets;
  }

  private static SheetPart sheet(PartReader part, Map<String, String> targets) {
    return new SheetPart(
        part.attribute("name").orElse(""),
        targets.getOrDefault(part.attribute("id").orElse(""), ""),
        part.attribute("state").filter(state -> !state.equals("visible")).isEmpty());
  }

  /** The truth values of XML Schema. */
  private static boolean isTrue(String value) {
    return value.equals("1") || value.equals("true");
  }

  @FunctionalInterface
  private interface AtTag {
    void on(PartReader part);
  }

  private static void each(Archive archive, String path, AtTag action)
      throws IOException, XMLStreamException {
    Optional<InputStream> stream = archive.part(path);
    if (stream.isEmpty()) {
      return;
    }
    try (PartReader part = new PartReader(stream.get(), Bounds.SMALL_PART)) {
      while (part.next()) {
        action.on(part);
      }
    }
  }
}
