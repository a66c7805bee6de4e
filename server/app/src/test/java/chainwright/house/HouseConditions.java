package chainwright.house;

import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;

/** Conditions that the architecture library does not have. */
final class HouseConditions {

  private HouseConditions() {}

  /** An array in a record can be written to from outside, and breaks its equality. */
  static ArchCondition<JavaField> notHoldAnArray() {
    return new ArchCondition<>("not hold an array") {
      @Override
      public void check(JavaField field, ConditionEvents events) {
        if (field.getRawType().isArray()) {
          events.add(SimpleConditionEvent.violated(field, field.getFullName() + " is an array"));
        }
      }
    };
  }
}
