package withers.report.list;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.cases.Reference;
import withers.contact.Contact;
import withers.finding.Finding;

/** What one list says about the same client: a single call is enough for all of it. */
final class OneCall {

  private final Reader reader;
  private final Map<Contact, List<Finding>> byClient = new LinkedHashMap<>();

  private OneCall(Reader reader) {
    this.reader = reader;
  }

  /** Goes through all that a list has. */
  static OneCall of(List<Finding> findings, Reader reader) {
    OneCall calls = new OneCall(reader);
    findings.forEach(calls::add);
    return calls;
  }

  private void add(Finding finding) {
    client(finding)
        .ifPresent(who -> byClient.computeIfAbsent(who, c -> new ArrayList<>()).add(finding));
  }

  private Optional<Contact> client(Finding finding) {
    return reader.see(finding.custodian()) instanceof Seen.Client client
        ? Optional.of(client.contact())
        : Optional.empty();
  }

  /** The same findings in their order, but each client's together, where the first one stands. */
  List<Finding> together(List<Finding> findings) {
    Map<Object, List<Finding>> groups = new LinkedHashMap<>();
    for (Finding finding : findings) {
      Object group = client(finding).<Object>map(contact -> contact).orElse(finding);
      groups.computeIfAbsent(group, none -> new ArrayList<>()).add(finding);
    }
    return groups.values().stream().flatMap(List::stream).toList();
  }

  /** The references of what else the list says about a finding's client, in the list's order. */
  List<String> others(Finding finding) {
    return client(finding).map(byClient::get).stream()
        .flatMap(List::stream)
        .filter(other -> !other.equals(finding))
        .map(other -> Reference.of(other.caseKey()))
        .toList();
  }
}
