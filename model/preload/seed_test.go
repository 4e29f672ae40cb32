package preload_test

import _ "bowline/model/sameseed" // of the property tests
