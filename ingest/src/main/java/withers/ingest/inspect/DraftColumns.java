package withers.ingest.inspect;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/** Writes the columns of a draft. */
record DraftColumns(Proposal proposal, Consumer<String> lines) {

  void write() {
    lines.accept("\ncolumns:");
    Map<String, List<Proposal.Recognised>> parties = new LinkedHashMap<>();
    for (Proposal.Recognised field : proposal.fields()) {
      int dot = field.path().indexOf('.');
      if (dot > 0) {
        String party = field.path().substring(0, dot);
        parties.computeIfAbsent(party, p -> new ArrayList<>()).add(field);
      } else if (!field.path().equals("animal-id")) {
        lines.accept("  " + field.path() + ": " + DraftText.quoted(field.header()) + reason(field));
      }
    }
    parties.forEach(this::party);
    proposal
        .passedOver()
        .forEach(header -> lines.accept("  # passed over: " + DraftText.quoted(header)));
  }

  private void party(String party, List<Proposal.Recognised> fields) {
    lines.accept("  " + party + ":");
    Map<String, List<Proposal.Recognised>> parts =
        fields.stream()
            .collect(
                Collectors.groupingBy(
                    field -> field.path().substring(party.length() + 1),
                    LinkedHashMap::new,
                    Collectors.toList()));
    parts.forEach(
        (part, columns) ->
            lines.accept("    " + part + ": " + headers(columns) + reason(columns.get(0))));
  }

  private static String headers(List<Proposal.Recognised> columns) {
    List<String> headers =
        columns.stream().map(column -> DraftText.quoted(column.header())).toList();
    return headers.size() == 1 ? headers.get(0) : "[" + String.join(", ", headers) + "]";
  }

  /** How sure it is and why, as a comment. */
  static String reason(Proposal.Recognised field) {
    return "  # " + field.certainty().percent() + " %: " + field.reason();
  }
}
