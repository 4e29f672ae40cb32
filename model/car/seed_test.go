package car

import _ "bowline/model/sameseed" // of the property tests
