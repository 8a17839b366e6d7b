package withers.ingest.sniff;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Map;

/**
 * What was found out about a file from a sample of it.
 *
 * @param charset the character set; the findings below are of the text in the likeliest
 * @param delimiter what stands between cells
 * @param quoting what stands around cells, by the likeliest delimiter
 * @param lineEnds how often each kind of line end stands in the sample
 * @param records the sample's records in the likeliest dialect, blank ones among them
 * @param widths how many cells they have
 * @param header which of the records is the header, by its place from 0
 * @param kinds what each of the records may be, by its place; empty without a header
 */
public record Sniffed(
    Finding<Charset> charset,
    Finding<Delimiter> delimiter,
    Finding<Quoting> quoting,
    Map<LineEnd, Integer> lineEnds,
    List<SampleRecord> records,
    Widths widths,
    Finding<Integer> header,
    Map<Integer, LineKind> kinds) {

  public Sniffed {
    lineEnds = Map.copyOf(lineEnds);
    records = List.copyOf(records);
    kinds = Map.copyOf(kinds);
  }

  @Override
  public String toString() {
    return "Sniffed[%d records]".formatted(records.size());
  }
}
