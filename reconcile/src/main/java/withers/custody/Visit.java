package withers.custody;

import java.time.LocalDate;
import java.util.Optional;
import withers.fact.Party;
import withers.finding.Who;
import withers.history.Statement;

/** A visit to a clinic, and the client who came (or whose account it was). */
public record Visit(Statement statement, Party party, Who client) {

  LocalDate day() {
    return statement.day();
  }

  boolean isOfClientId(Visit other) {
    Optional<String> id = ClientId.of(party);
    return id.isPresent()
        && id.equals(ClientId.of(other.party))
        && statement.source().equals(other.statement.source());
  }
}
