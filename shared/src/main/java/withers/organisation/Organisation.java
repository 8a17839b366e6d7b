package withers.organisation;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.NumberRange;
import withers.contact.Contact;
import withers.id.OrganisationId;

/**
 * An organisation of the network, or one that its records name.
 *
 * @param name the name shown to people
 * @param aliases other spellings under which records name it
 * @param contact its own published contact details, by which a registration is recognised as the
 *     organisation's
 * @param mail the address that its list goes to; empty means that no mail is prepared
 * @param carers foster carers and colony caretakers who hold animals on its behalf
 * @param policies what it has agreed with the network about its own registrations
 * @param registers for a registry, the numbers that may be registered with it; empty otherwise
 * @param periods those that it states otherwise than its region and the workspace do
 * @param also what it wants on its list that else is counted in the overview only
 */
public record Organisation(
    OrganisationId id,
    String name,
    OrganisationKind kind,
    List<String> aliases,
    Contact contact,
    Optional<String> mail,
    List<Contact> carers,
    Set<Policy> policies,
    List<NumberRange> registers,
    PeriodDays periods,
    Set<Extra> also) {

  public Organisation {
    aliases = List.copyOf(aliases);
    carers = List.copyOf(carers);
    policies = Set.copyOf(policies);
    registers = List.copyOf(registers);
    also = Set.copyOf(also);
  }

  /** One that states no periods and wants nothing besides. */
  public Organisation(
      OrganisationId id,
      String name,
      OrganisationKind kind,
      List<String> aliases,
      Contact contact,
      Optional<String> mail,
      List<Contact> carers,
      Set<Policy> policies,
      List<NumberRange> registers) {
    this(
        id,
        name,
        kind,
        aliases,
        contact,
        mail,
        carers,
        policies,
        registers,
        PeriodDays.NONE,
        Set.of());
  }
}
