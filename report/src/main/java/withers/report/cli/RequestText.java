package withers.report.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.contact.Contact;
import withers.report.privacy.Match;
import withers.report.privacy.Mention;
import withers.report.privacy.Request;
import withers.report.text.OneLine;

/** What was found of a person, as lines. */
record RequestText(Request request) {

  /** Records shown of each contact; a person has few. */
  private static final int MOST_RECORDS = 20;

  /** Each contact under its number, from 1, with its details and the records that name it. */
  List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (int i = 0; i < request.matches().size(); i++) {
      Match match = request.matches().get(i);
      lines.add("%d  %s  %s".formatted(i + 1, match.reference(), match.why()));
      details(match.contact()).forEach(line -> lines.add("     " + OneLine.of(line)));
      records(match).forEach(line -> lines.add("     " + OneLine.of(line)));
    }
    return lines;
  }

  private static Stream<String> details(Contact contact) {
    Stream<String> place =
        Stream.of(contact.postcode(), contact.town(), contact.region(), contact.country());
    String address =
        Stream.concat(contact.addressLines().stream(), place)
            .filter(part -> !part.isEmpty())
            .collect(Collectors.joining(", "));
    return Stream.of(
            "name: " + contact.fullName(),
            "phone: " + String.join(", ", contact.phones()),
            "e-mail: " + String.join(", ", contact.emails()),
            "address: " + address)
        .filter(line -> !line.endsWith(": "));
  }

  private Stream<String> records(Match match) {
    List<Mention> mentions =
        request.mentions().stream()
            .filter(mention -> mention.reference().equals(match.reference()))
            .toList();
    Stream<String> shown =
        mentions.stream()
            .limit(MOST_RECORDS)
            .map(
                mention ->
                    "said by %s, record %s, on %s: %s, %s"
                        .formatted(
                            mention.record().source(),
                            mention.record().key(),
                            mention.exportDate(),
                            mention.about(),
                            mention.role()));
    int rest = mentions.size() - MOST_RECORDS;
    return rest > 0 ? Stream.concat(shown, Stream.of("and %d more".formatted(rest))) : shown;
  }
}
