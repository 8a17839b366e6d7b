package withers.demo;

import java.util.List;
import java.util.function.Consumer;

/**
 * What happens seldom: each kind of finding that ordinary lives hardly bring about, and beside it
 * what looks alike and is right. How often is our own choice.
 */
final class RareLives {

  private static final List<Consumer<Life>> ALL =
      List.of(
          life -> new LossLife(life).live(),
          life -> new LossLife(life).live(),
          life -> new TransferLife(life).live(),
          life -> new TransferLife(life).live(),
          life -> new OneDayLife(life).live(),
          life -> new OneDayLife(life).live(),
          life -> new DeathLife(life).live(),
          life -> new DeathLife(life).live(),
          life -> new PlaceholderLife(life).live(),
          life -> new PlaceholderLife(life).live(),
          life -> new MistypedLife(life).live(),
          life -> new MistypedLife(life).live(),
          life -> new SharedNumberLife(life).live(),
          life -> new TwoRegistriesLife(life).live(),
          life -> new TwoRegistriesLife(life).live(),
          life -> new ScanLife(life).live(),
          life -> new PurchaserLife(life).live(),
          life -> new BoxLife(life).live());

  private RareLives() {}

  static void live(Life life) {
    life.dice.pick(ALL).accept(life);
  }
}
