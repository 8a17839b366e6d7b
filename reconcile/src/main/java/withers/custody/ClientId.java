package withers.custody;

import java.util.Optional;
import withers.fact.Party;

/** A source's own id for a client. */
final class ClientId {
  private ClientId() {}

  static Optional<String> of(Party party) {
    return party instanceof Party.Contact contact ? contact.clientId() : Optional.empty();
  }
}
