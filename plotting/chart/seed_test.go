package chart

import _ "bowline/model/sameseed" // of the property tests
