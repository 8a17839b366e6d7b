package withers.report.list;

import java.util.List;
import java.util.Optional;
import withers.cases.Channel;
import withers.chip.ChipNumber;
import withers.finding.Finding;
import withers.organisation.Organisation;

/**
 * A finding with everybody in it as the reader may see them.
 *
 * @param registered the primary contacts of the registrations, one entry a registration
 * @param registries the registries of those registrations, each once
 * @param channel how the reader's client wishes to be reached, where that was told
 */
record Situation(
    Finding finding,
    Reader reader,
    Seen custodian,
    List<Seen> registered,
    List<Organisation> registries,
    Optional<Channel> channel) {

  static Situation of(Finding finding, Reader reader, Optional<Channel> channel) {
    return new Situation(
        finding,
        reader,
        reader.see(finding.custodian()),
        finding.registered().stream().map(one -> reader.see(one.primary())).toList(),
        registries(finding, reader),
        channel);
  }

  private static List<Organisation> registries(Finding finding, Reader reader) {
    return finding.registered().stream()
        .map(Finding.Registration::registry)
        .distinct()
        .map(reader::organisation)
        .toList();
  }

  /** Whether the reader's own client has the animal and asked not to be contacted. */
  boolean isToBeLeftAlone() {
    return custodian instanceof Seen.Client
        && channel.filter(Channel.NOT_AT_ALL::equals).isPresent();
  }

  /** Whether the reader itself is the contact of every registration. */
  boolean registeredToReader() {
    return !registered.isEmpty()
        && registered.stream().allMatch(seen -> seen instanceof Seen.Member m && m.self());
  }

  /** The numbers in question: those whose registration is, or else all that the animal carries. */
  List<ChipNumber> numbers() {
    List<ChipNumber> registered =
        finding.registered().stream().map(Finding.Registration::chip).distinct().toList();
    return registered.isEmpty() ? finding.chips() : registered;
  }

  boolean anyRemoved() {
    return custodian instanceof Seen.Removed
        || registered.stream().anyMatch(Seen.Removed.class::isInstance);
  }
}
